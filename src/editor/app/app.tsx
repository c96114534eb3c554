export function App() {
  return <main>Pintruth</main>;
}
