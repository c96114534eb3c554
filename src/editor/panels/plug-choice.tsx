import { plugTitle } from "../../plug/index.ts";
import { useSelected } from "../session-context.tsx";

interface PlugChoiceProps {
  /** The plug chosen. */
  plug: string;
  onPlug: (plug: string) => void;
  className?: string | undefined;
}

/** Which plug of the job a page is about; nothing where there is only one. */
export function PlugChoice({ plug, onPlug, className }: PlugChoiceProps) {
  const plugs = useSelected((state) => state.job.plugs);
  if (plugs.length < 2) return null;
  return (
    <label className={className}>
      Plug
      <select value={plug} onChange={(event) => onPlug(event.target.value)}>
        {plugs.map((one) => (
          <option key={one.id} value={one.id}>
            {plugTitle(one)}
          </option>
        ))}
      </select>
    </label>
  );
}
