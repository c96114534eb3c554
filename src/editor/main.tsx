import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { newJob } from "../job/index.ts";
import { createSession } from "../session/index.ts";
import { App } from "./app/app.tsx";
import { SessionProvider } from "./session-context.tsx";
import { ThemeProvider } from "./theme/theme.tsx";
import "./theme/tokens.css";

const root = document.getElementById("root");
if (!root) throw new Error("the page has no #root");

createRoot(root).render(
  <StrictMode>
    <ThemeProvider>
      <SessionProvider session={createSession("new", newJob("New job", 24))}>
        <App />
      </SessionProvider>
    </ThemeProvider>
  </StrictMode>,
);
