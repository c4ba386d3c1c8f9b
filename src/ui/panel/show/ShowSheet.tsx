import { PagePart } from './page/PagePart.tsx';
import { PicturePart } from './picture/PicturePart.tsx';
import { TourPart } from './tour/TourPart.tsx';
import './show.css';

/** What is shown to others: a tour of views, pictures and film, and a page to pass on. */
export function ShowSheet() {
  return (
    <section className="show" aria-label="Show">
      <h2>Show</h2>
      <TourPart />
      <PicturePart />
      <PagePart />
    </section>
  );
}
