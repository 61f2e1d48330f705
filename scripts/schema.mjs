// Writes the JSON Schema of the trip file from the one validator. Run after `npm run build`.
import { writeFileSync } from "node:fs";
import { tripSchemaJson } from "../dist/core/trip/schema/trip.js";

const target = new URL("../schema/trip.schema.json", import.meta.url);
writeFileSync(target, `${JSON.stringify(tripSchemaJson(), null, 2)}\n`);
