/** Words of Univer's that say nothing, or not what to do, in our own. */
export const OUR_WORDS = {
  "sheets-sort-ui": {
    info: { tooltip: "Not sorted" },
    error: {
      "merge-size": "Some cells of the selection are merged. Separate them first.",
      "formula-array": "A formula fills several cells of the selection. Leave them out of it.",
    },
  },
  "sheets-ui": {
    "data-validation": { list: { dropdown: "Choose one" }, listMultiple: { dropdown: "Choose any" } },
  },
  "sheets-data-validation-ui": { alert: { title: "Not entered" } },
  "find-replace": {
    dialog: {
      "advanced-finding": "Replace and more",
      "find-placeholder": "What to find",
      "replace-placeholder": "What to put there",
      "no-result": "Not found",
      "no-match": "Nothing more was found.",
    },
  },
  "sheets-filter-ui": {
    panel: { "by-conditions": "By a rule", "search-placeholder": "Find among the values" },
  },
  "sheets-table-ui": {
    filter: { "by-conditions": "By a rule", "search-placeholder": "Find among the values" },
  },
};
