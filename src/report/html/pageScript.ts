/**
 * Script of the page: shows the buttons, and on the first press runs the plotly source that
 * stands in the page as text. Until then plotly is not even parsed; nothing is ever fetched.
 */
export const pageScript = `"use strict";
(function () {
  var source = document.getElementById("plotly-source");
  if (!source) return;
  function load() {
    if (window.Plotly) return;
    var script = document.createElement("script");
    script.textContent = source.textContent;
    document.head.appendChild(script);
  }
  function words(button, interactive) {
    var said = button.dataset;
    said.wake = said.wake || button.textContent;
    button.textContent = interactive ? said.still : said.wake;
  }
  document.querySelectorAll("button[data-figure]").forEach(function (button) {
    var figure = document.getElementById(button.dataset.figure);
    var still = figure.querySelector(".drawing");
    var live = figure.querySelector(".live");
    button.hidden = false;
    button.addEventListener("click", function () {
      var show = live.hidden;
      live.hidden = !show;
      still.hidden = show;
      words(button, show);
      if (!show) return;
      load();
      var drawn = JSON.parse(figure.querySelector('script[type="application/json"]').textContent);
      delete drawn.layout.width;
      delete drawn.layout.height;
      drawn.layout.autosize = true;
      window.Plotly.react(live, drawn.data, drawn.layout, {
        responsive: true, displaylogo: false, showSendToCloud: false, plotlyServerURL: "",
        showEditInChartStudio: false, showLink: false, modeBarButtonsToRemove: ["toImage", "sendDataToCloud"]
      });
    });
  });
})();
`;
