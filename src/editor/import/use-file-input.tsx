import { type ReactNode, useRef } from "react";

interface FileInputProps {
  /** What is asked for: "Picture or PDF of the diagram". */
  label: string;
  /** As an input of a page takes it: types and endings, with commas. */
  accept: string;
  /** Opens the camera where what is held in the hand has one. */
  isCamera?: boolean;
  multiple?: boolean;
  onFiles: (files: readonly File[]) => void;
}

interface FileInput {
  /** Asks for a file. */
  readonly ask: () => void;
  /** To be placed anywhere in the component. */
  readonly input: ReactNode;
}

/** A way to ask for files by any button. */
export function useFileInput({
  label,
  accept,
  isCamera = false,
  multiple = false,
  onFiles,
}: FileInputProps): FileInput {
  const field = useRef<HTMLInputElement>(null);
  return {
    ask: () => field.current?.click(),
    input: (
      <input
        ref={field}
        type="file"
        accept={accept}
        {...(isCamera && { capture: "environment" as const })}
        multiple={multiple}
        hidden
        aria-label={label}
        onChange={({ target }) => {
          const files = [...(target.files ?? [])];
          if (files.length > 0) onFiles(files);
          // The same one may be chosen again.
          target.value = "";
        }}
      />
    ),
  };
}

/** Asks the camera for a photo. */
export const useCamera = (onFiles: FileInputProps["onFiles"]): FileInput =>
  useFileInput({ label: "Photo from the camera", accept: "image/*", isCamera: true, onFiles });
