import { formatNumber } from '../../../core/units/index.ts';
import { removeOrder, setOrder } from '../../../state/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { mmShown, readMm } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { readPlain } from './readPlain.ts';

/** The format's own bounds. */
const longestRampS = 600;
const longestS = 3600;
const furthestMm = 200_000;

interface OrderRowProps {
  readonly trial: Scene['trials'][number];
  /** Which of its orders, from 0. */
  readonly index: number;
  /** Where an order that was by time is first given a place, mm. */
  readonly middleMm: number;
}

/** One order to the controller: when, to what setting, and how fast it is turned there. */
export function OrderRow({ trial, index, middleMm }: OrderRowProps) {
  const { actions } = useDesk();
  const show = useShow();
  const order = trial.orders[index];
  const number = index + 1;
  const put = (words: string, change: Parameters<typeof setOrder>[3]) =>
    actions.attempt(`${words} of order ${number}`, (scene) => setOrder(scene, trial.id, index, change));
  const drag = {
    others: '',
    onDragStart: actions.beginGesture,
    onDragEnd: actions.settleGesture,
    onDragCancel: actions.bailGesture,
  };
  const seconds = (value: number) => [formatNumber(value, { digits: 1, trim: true }), 's'] as const;
  return (
    <li>
      {order.atMm === undefined ? (
        <DimensionField
          label={`${number}. After`}
          value={order.atS ?? 0}
          shown={seconds(order.atS ?? 0)}
          read={(text) => readPlain(text, 's')}
          step={0.5}
          least={0}
          most={longestS}
          onChange={(atS) => put('time', { atS })}
          {...drag}
        />
      ) : (
        <DimensionField
          label={`${number}. At`}
          value={order.atMm}
          shown={mmShown(order.atMm, show).shown}
          read={(text) => readMm(text, show)}
          step={10}
          least={0}
          most={furthestMm}
          onChange={(atMm) => put('place', { atMm })}
          {...drag}
        />
      )}
      <DimensionField
        label="Setting"
        value={Math.round(order.setting * 1e4) / 100}
        shown={[formatNumber(order.setting * 100, { digits: 1, trim: true }), '%']}
        read={(text) => readPlain(text, '%')}
        step={1}
        least={-100}
        most={100}
        onChange={(percent) => put('setting', { setting: percent / 100 })}
        {...drag}
      />
      <DimensionField
        label="Turned over"
        value={order.rampS ?? 1}
        shown={seconds(order.rampS ?? 1)}
        read={(text) => readPlain(text, 's')}
        step={0.5}
        least={0}
        most={longestRampS}
        onChange={(rampS) => put('turning time', { rampS })}
        {...drag}
      />
      <Refusable
        acts={[
          order.atMm === undefined
            ? {
                words: 'By place',
                spoken: `Order ${number} by place`,
                act: () => put('moment', { atMm: middleMm }),
              }
            : { words: 'By time', spoken: `Order ${number} by time`, act: () => put('moment', { atS: 0 }) },
          {
            words: 'Remove',
            spoken: `Remove order ${number}`,
            act: () => actions.attempt(`order ${number}`, (scene) => removeOrder(scene, trial.id, index)),
          },
        ]}
      />
    </li>
  );
}
