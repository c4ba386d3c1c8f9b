interface FactProps {
  readonly name: string;
  readonly shown: readonly [figure: string, unit: string];
  readonly others?: string;
}

/** A dimension to read: its name above, figure and unit, other forms at the right. */
export function Fact({ name, shown: [figure, unit], others = '' }: FactProps) {
  return (
    <div className="fact">
      <span className="name">{name}</span>
      <span className="line">
        <span className="figure">{figure}</span>
        {unit && <span className="unit">{unit}</span>}
        <span className="others">{others}</span>
      </span>
    </div>
  );
}
