// For a browser that knows no modules: it cannot run the program, and is told what it can do.
document.getElementById("speaks").textContent = "Not running";
document.getElementById("view").innerHTML =
  '<div class="plain"><p>This browser cannot run the program. A newer browser can, and the tables can be read in this one.</p>' +
  '<p><a class="wide main" href="tables.html">Read the tables</a></p></div>';
