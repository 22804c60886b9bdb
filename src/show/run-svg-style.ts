/**
 * What do the parts of a run's picture look like? One style sheet for light and dark, in the
 * Okabe-Ito colours; every kind of line has its own dashes.
 */
import { OKABE_ITO } from './colour.js';

/** The style sheet of a run's picture; classes are named for what they mark. */
export const RUN_SVG_STYLE = `
text{font-family:system-ui,sans-serif;font-size:13px;fill:#1b1f24}
.title{font-size:19px;font-weight:600}
.quiet,.tick{fill:#57606a}
.tick,.event-name{font-size:12px}
.end{text-anchor:end}
.middle{text-anchor:middle}
.paper{fill:#ffffff}
.box{fill:none;stroke:#8c959f}
.grid{stroke:#d8dee4}
.zero{stroke:#8c959f}
.window{fill:#8c959f;fill-opacity:.14}
.event{stroke:#57606a;stroke-dasharray:1 4;stroke-linecap:round;stroke-width:1.6}
.line{fill:none;stroke:${OKABE_ITO.blue};stroke-width:1.5;stroke-linejoin:round}
.ceiling{fill:none;stroke:${OKABE_ITO.vermillion};stroke-width:1.4;stroke-dasharray:7 4}
.set-point{fill:none;stroke:${OKABE_ITO.bluishGreen};stroke-width:1.6;stroke-dasharray:2 3}
.cut{fill:${OKABE_ITO.vermillion}}
@media (prefers-color-scheme:dark){
text{fill:#e6e9ed}
.quiet,.tick{fill:#a5adb7}
.paper{fill:#14171b}
.grid{stroke:#2b3036}
.box,.zero{stroke:#6b737d}
.event{stroke:#a5adb7}
.line{stroke:${OKABE_ITO.skyBlue}}
.ceiling{stroke:${OKABE_ITO.orange}}
.set-point{stroke:${OKABE_ITO.yellow}}
.cut{fill:${OKABE_ITO.orange}}
}`;
