package rainward.brief;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.cycle.Outlook.Seedbed.Wetness;

/**
 * Fields of one property whose ground is alike.
 *
 * @param property its name
 * @param wetness at seed depth
 * @param tempC at seed depth, mean over the fields [C]
 * @param workable when it is fit to work
 * @param fields their names
 */
public record SoilLine(
        String property, Wetness wetness, double tempC, Workable workable, List<String> fields) {

    public SoilLine {
        fields = List.copyOf(fields);
    }

    /**
     * When ground is fit to work.
     *
     * @param now true where it is already
     * @param from the first hour, latest of the fields; empty where it is now, or not in sight
     */
    public record Workable(boolean now, Optional<Instant> from) {}
}
