import { Camera, FileImage } from "lucide-react";
import { Button } from "../../app/controls/index.ts";
import { useCamera, useFileInput } from "../../import/index.ts";
import styles from "./photo-source.module.css";

interface PhotoSourceProps {
  /** There is a picture already: this brings in one in its place. */
  isAgain: boolean;
  onFile: (file: File) => void;
}

/** Brings a picture in: from a file, or from the camera of what is held in the hand. */
export function PhotoSource({ isAgain, onFile }: PhotoSourceProps) {
  const text = isAgain ? "Another picture" : "Choose a picture";
  const take = ([chosen]: readonly File[]) => chosen && onFile(chosen);
  const camera = useCamera(take);
  const file = useFileInput({
    label: text,
    accept: "image/png,image/jpeg,image/webp",
    onFiles: take,
  });
  return (
    <div className={styles.source}>
      <Button className={styles.camera} icon={<Camera aria-hidden />} onClick={camera.ask}>
        {isAgain ? "Another photo" : "Take a photo"}
      </Button>
      <Button
        tone={isAgain ? "plain" : "primary"}
        icon={<FileImage aria-hidden />}
        onClick={file.ask}
      >
        {text}
      </Button>
      {file.input}
      {camera.input}
    </div>
  );
}
