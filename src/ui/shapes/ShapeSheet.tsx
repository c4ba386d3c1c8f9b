import { useMemo, useState } from 'react';
import {
  type ShapeScale,
  type ShapeValues,
  type StartingShape,
  shapeScales,
  startingShapes,
  usualValues,
} from '../../state/shapes/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { Dialog } from '../controls/Dialog.tsx';
import { type Made, madeOf } from './made.ts';
import { Proposal } from './Proposal.tsx';
import { ShapeFields } from './ShapeFields.tsx';
import { ShapeList } from './ShapeList.tsx';
import './shapes.css';

/** The scale of the railway that is open is the likeliest for the next one. */
const scaleLike = (gaugeMm: number | undefined, name: string | undefined): ShapeScale =>
  shapeScales.find((scale) => scale.name === name) ??
  shapeScales.find((scale) => scale.gaugeMm === gaugeMm) ??
  shapeScales[0];

/** Pick a shape, say a few numbers, see what comes of them, create it. */
export function ShapeSheet() {
  const { actions } = useDesk();
  const open = useSession((state) => state.scene?.scale);
  const [shape, setShape] = useState<StartingShape>(startingShapes[1] ?? startingShapes[0]);
  const [scale, setScale] = useState<ShapeScale>(() => scaleLike(open?.gaugeMm, open?.name));
  // What the person said; the rest stays usual for the scale.
  const [said, setSaid] = useState<ShapeValues>({});
  const values = useMemo(() => ({ ...usualValues(shape, scale), ...said }), [shape, scale, said]);
  const made: Made = useMemo(() => madeOf(shape, scale, values), [shape, scale, values]);
  const close = () => actions.setMaking(false);
  const create = () => {
    if (!made.ok) return;
    close();
    const { scene } = made.shaped;
    void actions.openScene(scene, { from: 'shape', name: scene.name });
    actions.setChapter('route');
    actions.showWhole();
  };
  return (
    <Dialog title="New railway" onClose={close} className="new-railway">
      <div className="shape-desk">
        <ShapeList
          scale={scale}
          chosen={shape}
          onChoose={(next) => {
            setShape(next);
            setSaid({});
          }}
        />
        <div className="shape-numbers">
          <p>{shape.about}</p>
          <label className="scale-choice">
            Scale
            <select
              value={scale.name}
              onChange={(event) => {
                setScale(shapeScales.find(({ name }) => name === event.target.value) ?? scale);
                setSaid({});
              }}
            >
              {shapeScales.map(({ name, ratio, gaugeMm }) => (
                <option key={name} value={name}>
                  {name} · 1:{ratio} · {gaugeMm} mm gauge
                </option>
              ))}
            </select>
          </label>
          <ShapeFields
            fields={shape.fields}
            values={values}
            onChange={(id, value) => setSaid((now) => ({ ...now, [id]: value }))}
          />
        </div>
        <Proposal made={made} />
      </div>
      <div className="actions">
        <button type="button" className="plain-button" onClick={close}>
          Cancel
        </button>
        <button type="button" className="plain-button first" disabled={!made.ok} onClick={create}>
          Create
        </button>
      </div>
    </Dialog>
  );
}
