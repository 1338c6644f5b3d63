/** The usual cautions, in the order of the work. They defer to the supplier, to local rules and to licensed practice. */
export const CAUTIONS: readonly string[] = [
  "Hot wax burns skin and catches fire. Heat it slowly, watch the thermometer, never leave it alone.",
  "Wax on fire: heat off, lid on. Never water. Keep a lid and a dry-powder or CO2 extinguisher within reach.",
  "Scent: keep below its flash point; its safety data sheet and product limit and the wax maker's maximum come first.",
  "Air the room; keep children and pets out. Glass warm, clean and dry; throw out any that is chipped or cracked.",
  "Local rules and licensed practice come before this sheet. It plans weights and certifies nothing.",
];
