import { ImageDown } from "lucide-react";
import { useEffect, useState } from "react";
import styles from "./drop-zone.module.css";

/** Files may be dropped anywhere; while they hover the whole window says so. */
export function DropZone({ onFiles }: { onFiles: (files: readonly File[]) => void }) {
  const [hovering, setHovering] = useState(false);
  useEffect(() => {
    const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
    const over = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setHovering(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setHovering(false);
    };
    const drop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setHovering(false);
      onFiles([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener("dragover", over);
    addEventListener("dragleave", leave);
    addEventListener("drop", drop);
    return () => {
      removeEventListener("dragover", over);
      removeEventListener("dragleave", leave);
      removeEventListener("drop", drop);
    };
  }, [onFiles]);
  if (!hovering) return null;
  return (
    <div className={styles.zone}>
      <p>
        <ImageDown aria-hidden size={32} />
        Drop a picture or a PDF for the diagram, or a job file to open it
      </p>
    </div>
  );
}
