import * as z from "zod/mini";
import "./runview";

// As in the pane: its Content-Security-Policy forbids compiling code.
z.config({ jitless: true });
