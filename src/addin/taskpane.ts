import { showPane } from "../pane/show-pane";
import { waitForHost } from "./host";

const place = document.getElementById("pane");
if (place) void waitForHost(place).then((there) => there && showPane(place));
