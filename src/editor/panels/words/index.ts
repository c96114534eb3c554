export { RolePick } from "./role-pick.tsx";
export { TaughtWords } from "./taught-words.tsx";
export { WordMeaning } from "./word-meaning.tsx";
