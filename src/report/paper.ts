/** Where the page's script shows a sheet of the chosen spring, to be printed by itself. */
export const paperDialog =
  '<dialog class="paper" id="paper" aria-labelledby="paper-name"><div class="paper-bar screen-only">' +
  '<p id="paper-name"></p><button type="button" id="paper-print">Print</button>' +
  '<button type="button" id="paper-close">Close</button></div><div id="paper-sheet"></div></dialog>';
