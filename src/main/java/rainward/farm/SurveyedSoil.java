package rainward.farm;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * Soil at a place as a public survey has it: a proposal that the person confirms or replaces.
 *
 * @param texture of the top 30 cm
 * @param slopeFraction rise over run, where the survey has it
 * @param origin which survey, when fetched
 * @param described what it is made of, in words for the user
 */
public record SurveyedSoil(
        SoilTexture texture, OptionalDouble slopeFraction, Origin origin, String described) {

    public SurveyedSoil {
        slopeFraction.ifPresent(s -> Require.inRange("slopeFraction", s, 0, 0.6));
    }

    /** The same soil with a reserve, in words for the user. */
    public SurveyedSoil but(String reserve) {
        return new SurveyedSoil(texture, slopeFraction, origin, described + "; " + reserve);
    }

    /**
     * Where it comes from.
     *
     * @param source short name of the survey
     * @param fetchedAt when its values were fetched; they are kept, not its keys
     */
    public record Origin(String source, Instant fetchedAt) {

        public Origin {
            Require.named("source", source);
        }
    }
}
