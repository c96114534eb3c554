import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import { Modal } from "../app/controls/index.ts";
import { type PageQuestion, pageQuestion } from "./import-picture.ts";
import styles from "./page-picker.module.css";

/** Asks which page of a PDF becomes a sheet, whenever one is waiting to be asked about. */
export function PagePicker() {
  const { asked } = useSyncExternalStore(pageQuestion.subscribe, pageQuestion.get);
  return asked && <Picker asked={asked} />;
}

function Picker({ asked }: { asked: PageQuestion }) {
  const { pages, name, answer } = asked;
  const numbers = Array.from({ length: pages.count }, (_, index) => index + 1);
  return (
    <Modal
      title="Choose the page"
      lead={`${name || "The PDF"} has ${pages.count} pages. The one you choose becomes a sheet.`}
      width="wide"
      onClose={() => answer(null)}
    >
      <ul className={styles.pages}>
        {numbers.map((number) => (
          <li key={number}>
            <button type="button" className={styles.page} onClick={() => answer(number)}>
              <Thumbnail asked={asked} number={number} />
              Page {number}
            </button>
          </li>
        ))}
      </ul>
    </Modal>
  );
}

const WIDTH = 220;

/** Drawn only once it comes into sight: a manual has hundreds of pages. */
function Thumbnail({ asked, number }: { asked: PageQuestion; number: number }) {
  const frame = useRef<HTMLSpanElement>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    let gone = false;
    const observer = new IntersectionObserver((entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return;
      observer.disconnect();
      asked.pages
        .thumbnail(number, WIDTH)
        .then((canvas) => {
          if (!gone) element.replaceChildren(canvas);
        })
        .catch(() => {
          if (!gone) setFailed(true);
        });
    });
    observer.observe(element);
    return () => {
      gone = true;
      observer.disconnect();
    };
  }, [asked, number]);
  return (
    <>
      <span ref={frame} className={styles.picture} aria-hidden="true" />
      {failed && <span>can't be drawn</span>}
    </>
  );
}
