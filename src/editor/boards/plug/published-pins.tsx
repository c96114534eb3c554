import { parseColour, type TrailerPlug } from "../../../standards/index.ts";
import { ColourSwatch } from "./colour-swatch.tsx";
import styles from "./published-pins.module.css";

/** A published pin table, to lay beside the plug: what its maker wired may be something else. */
export function PublishedPins({ table }: { table: TrailerPlug }) {
  return (
    <table className={styles.pins}>
      <caption>
        As {table.standard} publishes it. This machine may be wired otherwise: measure.
        {table.note && ` ${table.note}`}
      </caption>
      <tbody>
        {table.pins.map((pin) => (
          <tr key={pin.mark}>
            <th scope="row">{pin.mark}</th>
            <td>{pin.use}</td>
            <td className={styles.colour}>
              {pin.colour !== null && (
                <>
                  <ColourSwatch colour={parseColour(pin.colour)} /> {pin.colour}
                </>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
