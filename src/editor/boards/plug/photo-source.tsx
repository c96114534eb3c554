import { Camera, FileImage } from "lucide-react";
import { useRef } from "react";
import { Button } from "../../app/controls/index.ts";
import styles from "./photo-source.module.css";

interface PhotoSourceProps {
  /** There is a picture already: this brings in one in its place. */
  isAgain: boolean;
  onFile: (file: File) => void;
}

/** Brings a picture in: from a file, or from the camera of what is held in the hand. */
export function PhotoSource({ isAgain, onFile }: PhotoSourceProps) {
  const file = useRef<HTMLInputElement>(null);
  const camera = useRef<HTMLInputElement>(null);
  const text = isAgain ? "Another picture" : "Choose a picture";
  const take = (input: HTMLInputElement) => {
    const [chosen] = input.files ?? [];
    if (chosen) onFile(chosen);
    // The same one may be chosen again.
    input.value = "";
  };
  return (
    <div className={styles.source}>
      <Button
        className={styles.camera}
        icon={<Camera aria-hidden />}
        onClick={() => camera.current?.click()}
      >
        {isAgain ? "Another photo" : "Take a photo"}
      </Button>
      <Button
        tone={isAgain ? "plain" : "primary"}
        icon={<FileImage aria-hidden />}
        onClick={() => file.current?.click()}
      >
        {text}
      </Button>
      <input
        ref={file}
        type="file"
        accept="image/png,image/jpeg,image/webp"
        hidden
        aria-label={text}
        onChange={(event) => take(event.target)}
      />
      <input
        ref={camera}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label="Photo from the camera"
        onChange={(event) => take(event.target)}
      />
    </div>
  );
}
