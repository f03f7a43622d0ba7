import type { ReactNode } from 'react';
import './TitleBlock.css';

export interface TitleBlockProps {
  readonly job: string;
  readonly gear: string;
  readonly material?: string | undefined;
  readonly note?: string | undefined;
  readonly scale?: string | undefined;
  readonly unit: 'mm' | 'in';
  readonly isNarrow: boolean;
}

/** What the drawing is of, its scale and unit, after ISO 7200. */
export function TitleBlock({ job, gear, material, note, scale, unit, isNarrow }: TitleBlockProps): ReactNode {
  const unitWord = unit === 'in' ? 'inch' : 'mm';
  return (
    <div className={isNarrow ? 'TitleBlock TitleBlock-narrow' : 'TitleBlock'}>
      {note && <p className="TitleBlock-note">{note}</p>}
      <dl className="TitleBlock-fields">
        {!isNarrow && <Field name="job" value={job} />}
        <Field name="gear" value={gear} />
        {!isNarrow && material && <Field name="material" value={material} />}
        {scale && <Field name="scale" value={scale} />}
        <Field name="unit" value={unitWord} />
      </dl>
    </div>
  );
}

function Field({ name, value }: { readonly name: string; readonly value: string }): ReactNode {
  return (
    <div className="TitleBlock-field">
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
