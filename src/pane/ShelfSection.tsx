import type { ShelfState } from "./state/useShelf";
import { SHELF } from "./words/shelf";

/** What is left of each item, and what it is worth. */
export function ShelfSection({ shelf: { shelf, refused } }: { shelf: ShelfState }) {
  return (
    <section aria-labelledby="pane-shelf">
      <h2 id="pane-shelf">{SHELF.heading}</h2>
      {refused && <p className="wrong">{refused}</p>}
      {!refused &&
        (shelf && shelf.items.length > 0 ? <Left shelf={shelf} /> : <p>{shelf ? SHELF.nothing : SHELF.noMoves}</p>)}
      {shelf?.overdrawn.map(({ item, lot, amount }) => (
        <p key={`${item} ${lot}`} className="wrong">
          {SHELF.overdrawn(item, lot, amount)}
        </p>
      ))}
    </section>
  );
}

function Left({ shelf: { items, total, unpriced, method } }: { shelf: NonNullable<ShelfState["shelf"]> }) {
  return (
    <>
      <p>{SHELF.total(total, method)}</p>
      {unpriced.length > 0 && <p className="wrong">{SHELF.unpriced(unpriced)}</p>}
      <table className="shelf">
        <thead>
          <tr>
            <th scope="col">{SHELF.item}</th>
            <th scope="col">{SHELF.left}</th>
            <th scope="col">{SHELF.worth}</th>
          </tr>
        </thead>
        <tbody>
          {items.map(({ item, left, lots, value }) => (
            <tr key={item}>
              <th scope="row">
                {item}
                <small>{SHELF.lots(lots)}</small>
              </th>
              <td>{left}</td>
              <td>{lots.some(({ unitPrice }) => unitPrice !== undefined) ? SHELF.money(value) : SHELF.noPrice}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
