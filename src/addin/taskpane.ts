import { waitForHost } from "./host";

const place = document.getElementById("pane");
if (place) void waitForHost(place);
