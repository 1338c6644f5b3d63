import { plain } from "../core/check/plain";
import { othersOf, type PlannedPot } from "../runsheet/plan/runPlan";
import { PREVIEW } from "./words/preview";

const [LEFT, TOP, WIDTH, HEIGHT] = [8, 10, 64, 78];
/** Pale to dark and hatched in turn, so that neighbours differ without colour. */
const SHADES = 6;

/** A pot drawn filled to its level, each vessel's part a layer; the words beneath say the same. */
export function PotPicture(props: { pot: PlannedPot; number: number; capacity: number; unit: string }) {
  const { pot, number, capacity, unit } = props;
  const poured = pot.lines.reduce((sum, line) => sum + line.poured, 0);
  const others = othersOf(pot);
  const level = Math.min(1, pot.melted / capacity) * HEIGHT;
  let bottom = TOP + HEIGHT;
  const layers = pot.lines.map((line, i) => {
    const height = (line.poured / poured) * level;
    bottom -= height;
    return { ...line, i, y: bottom, height };
  });
  const said = pot.lines.map(({ count, vessel }) => `${count} ${vessel.slice(0, 60)}`).join(", ");
  return (
    <figure className="pot">
      <svg viewBox="0 0 88 96" role="img" aria-label={PREVIEW.full(number, Math.round((level / HEIGHT) * 100))}>
        {layers.map(({ i, y, height }) => (
          <g key={i} className={`layer shade-${i % SHADES}`}>
            <rect x={LEFT} y={y} width={WIDTH} height={height} />
          </g>
        ))}
        <path className="outline" d={`M${LEFT} ${TOP - 4} V${TOP + HEIGHT} H${LEFT + WIDTH} V${TOP - 4}`} />
        <path className="outline" d={`M${LEFT + WIDTH} ${TOP + 14} h10 v34 h-10`} />
        <line className="brim" x1={LEFT} x2={LEFT + WIDTH} y1={TOP} y2={TOP} />
      </svg>
      <figcaption>
        <strong>{PREVIEW.pot(number, `${plain(pot.melted)} ${unit}`)}</strong>
        <span>
          {PREVIEW.parts(
            plain(pot.wax),
            pot.scent > 0 ? plain(pot.scent) : undefined,
            others > 0 ? plain(others) : undefined,
          )}
        </span>
        <span>{said}</span>
      </figcaption>
    </figure>
  );
}
