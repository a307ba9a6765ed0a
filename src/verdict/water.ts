/** What becomes of the moisture of the room air, in one sentence. */
import type { EngineFacts, Moisture } from '../run/result.ts';
import { celsiusText, gaugeText, shareText, waterText } from './figures.ts';

export function waterSentence(engine: EngineFacts, moisture: Moisture): string {
  const { condensed, carriedOn, takenIn, receiverPressure, pressureDewPoint, exhaustDewPoint } = moisture;
  const under = gaugeText(receiverPressure, engine.atmosphericPressure);
  const room = celsiusText(engine.atmosphericTemperature);
  const comesIn =
    `At ${shareText(engine.relativeHumidity)} relative humidity and ${room} the air brings ${waterText(takenIn)} of ` +
    `water an hour`;
  const dropsOut =
    condensed > 0
      ? `; under ${under} its dew point is ${celsiusText(pressureDewPoint)}, so ${waterText(condensed)} drop out as it cools ` +
        `to the room and want draining, and ${waterText(carriedOn)} go on through the engine`
      : `, all of which goes on through the engine`;
  return `${comesIn}${dropsOut}. Back at the pressure of the room, that air lays down dew or frost below ${celsiusText(exhaustDewPoint)}.`;
}
