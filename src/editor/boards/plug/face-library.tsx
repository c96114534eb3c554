import { ArrowLeft } from "lucide-react";
import {
  FACE_LIBRARY,
  faceOf,
  type LibraryFace,
  NEUTRAL_PLACES_NOTE,
} from "../../../plug/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./face-library.module.css";
import { FacePreview } from "./face-preview.tsx";

interface FaceLibraryProps {
  onChoose: (face: LibraryFace) => void;
  onBack: () => void;
}

const GROUPS = [...new Set(FACE_LIBRARY.map((face) => face.group))];

/** Every ready-made face by its look, group by group; the next step is still to change it. */
export function FaceLibrary({ onChoose, onBack }: FaceLibraryProps) {
  return (
    <div className={styles.library}>
      <Button className={styles.back} icon={<ArrowLeft aria-hidden />} onClick={onBack}>
        Draw it by fields
      </Button>
      {GROUPS.map((group) => (
        <section key={group} className={styles.group} aria-label={group}>
          <h3>{group}</h3>
          {group === "Trailer and brake plugs" && (
            <p>The marks and what they are for are the standards’. {NEUTRAL_PLACES_NOTE}</p>
          )}
          <div className={styles.faces}>
            {FACE_LIBRARY.filter((face) => face.group === group).map((face) => (
              <button
                key={face.id}
                type="button"
                className={styles.face}
                onClick={() => onChoose(face)}
              >
                <span className={styles.picture} aria-hidden="true">
                  <FacePreview
                    plug={{ ...faceOf(face.plan), side: "mating" }}
                    side="mating"
                    label=""
                  />
                </span>
                {face.name}
              </button>
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}
