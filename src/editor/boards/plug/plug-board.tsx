import { useState } from "react";
import { freeId, idsOf, type Plug } from "../../../job/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { DrawPlugDialog } from "./draw-plug-dialog.tsx";
import { EmptyPlug } from "./empty-plug.tsx";
import { FaceBoard } from "./face-board.tsx";
import { PhotoDialog } from "./photo-dialog.tsx";
import type { PlanForm } from "./plan-form.ts";
import styles from "./plug-board.module.css";

type Drawing =
  | { readonly by: "fields"; readonly start?: PlanForm }
  | { readonly by: "library" }
  | { readonly by: "photo" };

/** The plug board: the face of the plug at hand, or the ways to draw one. Fills its parent. */
export function PlugBoard() {
  const session = useSession();
  const plugs = useSelected((state) => state.job.plugs);
  const plugId = useSelected((state) => state.plug);
  const plug = plugs.find((one) => one.id === plugId) ?? null;
  const [drawing, setDrawing] = useState<Drawing | null>(null);
  // The plug just made without cavities: its board begins by putting them in.
  const [bare, setBare] = useState<string | null>(null);

  const insert = (drawn: Omit<Plug, "id">, how = "") => {
    const id = freeId(idsOf(session.get().job), "X");
    session.edit(`Draw plug ${id}${how}`, (draft) => {
      draft.plugs.push({ id, ...drawn });
    });
    session.show({ plug: id, side: drawn.side, selection: [] });
    setBare(drawn.cavities.length === 0 ? id : null);
    setDrawing(null);
  };
  const byFields = (start?: PlanForm) => setDrawing({ by: "fields", start });
  const byPhoto = () => setDrawing({ by: "photo" });

  return (
    <div className={styles.board}>
      {plug ? (
        <FaceBoard
          key={plug.id}
          plug={plug}
          plugs={plugs}
          startAdding={bare === plug.id}
          onDraw={byFields}
          onPhoto={byPhoto}
        />
      ) : (
        <EmptyPlug
          onDraw={byFields}
          onPhoto={byPhoto}
          onLibrary={() => setDrawing({ by: "library" })}
        />
      )}
      {(drawing?.by === "fields" || drawing?.by === "library") && (
        <DrawPlugDialog
          plug={null}
          start={drawing.by === "fields" ? drawing.start : undefined}
          fromLibrary={drawing.by === "library"}
          onClose={() => setDrawing(null)}
          onDraw={(drawn) => insert(drawn)}
        />
      )}
      {drawing?.by === "photo" && (
        <PhotoDialog
          onClose={() => setDrawing(null)}
          onDraw={(drawn) => insert(drawn, " from a photo")}
        />
      )}
    </div>
  );
}
