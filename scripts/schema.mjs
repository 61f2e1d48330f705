// Writes the JSON Schemas of the trip, fleet and log files and of the results, each from its one validator. Run after `npm run build`.
import { writeFileSync } from "node:fs";
import { campSchemaJson } from "../dist/core/camp/campSchema.js";
import { closeOutFileSchemaJson } from "../dist/core/camp/closeOutFile.js";
import { closeOutSchemaJson } from "../dist/core/camp/closeOutResult.js";
import { experimentFileSchemaJson } from "../dist/core/camp/experimentFile.js";
import { experimentSchemaJson } from "../dist/core/camp/experimentResult.js";
import { iceTestFileSchemaJson } from "../dist/core/camp/iceTestFile.js";
import { iceTestSchemaJson } from "../dist/core/camp/iceTestResult.js";
import { logSchemaJson } from "../dist/core/camp/logSchema.js";
import { resultSchemaJson } from "../dist/core/forecast/resultSchema.js";
import { fleetSchemaJson } from "../dist/core/trip/schema/coolers.js";
import { historySchemaJson } from "../dist/core/trip/schema/history.js";
import { tripSchemaJson } from "../dist/core/trip/schema/trip.js";
import { whatIfSchemasJson } from "../dist/core/whatif/resultSchema.js";

const write = (name, schema) =>
  writeFileSync(new URL(`../schema/${name}`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);

write("trip.schema.json", tripSchemaJson());
write("fleet.schema.json", fleetSchemaJson());
write("history.schema.json", historySchemaJson());
write("log.schema.json", logSchemaJson());
write("closeout-file.schema.json", closeOutFileSchemaJson());
write("closeout.schema.json", closeOutSchemaJson());
write("experiment-file.schema.json", experimentFileSchemaJson());
write("experiment.schema.json", experimentSchemaJson());
write("test.schema.json", iceTestFileSchemaJson());
write("icetest.schema.json", iceTestSchemaJson());
write("result.schema.json", resultSchemaJson());
write("camp.schema.json", campSchemaJson());
for (const [command, schema] of Object.entries(whatIfSchemasJson())) write(`${command}.schema.json`, schema);
