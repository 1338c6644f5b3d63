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
    rightClick: { showHideRow: "Show hidden rows", showHideColumn: "Show hidden columns" },
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
      "replace-all": "Replace all",
      "case-sensitive": "Capitals as typed",
      "match-the-whole-cell": "Whole cells only",
      "find-direction": { title: "Order", row: "Row by row", column: "Column by column" },
      "find-scope": { title: "Where", "current-sheet": "This sheet", workbook: "All sheets" },
      "find-by": { title: "In", value: "What cells show", formula: "Formulas" },
    },
    replace: { "all-success": "Cells changed: {0}." },
  },
  "sheets-note-ui": { note: { placeholder: "A note for this cell" } },
  "sheets-hyper-link-ui": {
    form: {
      label: "Text",
      labelPlaceholder: "What the cell shows",
      type: "Leads to",
      link: "A web address",
      linkPlaceholder: "https://...",
      range: "Cells",
      worksheet: "A sheet",
      definedName: "A name",
      inputError: "Fill this in.",
      selectError: "Choose one.",
      linkError: "This is no web address.",
    },
    message: {
      noSheet: "The sheet of this link is not there any more.",
      refError: "The cells of this link are not there any more.",
      hiddenSheet: "The sheet of this link is hidden.",
    },
    popup: { cancel: "Remove link" },
  },
  "sheets-conditional-formatting-ui": {
    panel: {
      range: "Cells",
      styleType: "Kind",
      styleRule: "When",
      submit: "Apply",
      rankAndAverage: "Top, bottom or average",
    },
    form: { rangeSelector: "Choose cells or type a value" },
    errorMessage: {
      notBlank: "Fill this in.",
      formulaError: "This is no formula that can be worked out.",
      rangeError: "These are no cells.",
    },
  },
  "sheets-filter-ui": {
    panel: { "by-conditions": "By a rule", "search-placeholder": "Find among the values" },
  },
  "sheets-table-ui": {
    filter: { "by-conditions": "By a rule", "search-placeholder": "Find among the values" },
  },
};
