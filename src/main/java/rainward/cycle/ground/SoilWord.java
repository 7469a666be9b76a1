package rainward.cycle.ground;

import java.time.Instant;
import rainward.soil.SoilState;

/**
 * What somebody who dug said of the soil at seed depth.
 *
 * @param at when
 * @param word what
 */
public record SoilWord(Instant at, SoilState.Word word) {}
