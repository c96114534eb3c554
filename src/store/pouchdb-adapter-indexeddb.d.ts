declare module "pouchdb-adapter-indexeddb" {
  const plugin: PouchDB.Plugin;
  export default plugin;
}
