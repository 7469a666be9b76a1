package rainward.daemon.demo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The demo's files, which come with the program. */
final class DemoFiles {

    private static final String FOLDER = "/demo-forecasts/";
    private static final DateTimeFormatter ISSUED =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmm'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private DemoFiles() {}

    /**
     * A forecast that the demo has.
     *
     * @param place part of the file's name
     * @param position latitude and longitude as the service is asked for it
     * @param grid x and y of the cell
     * @param issued when
     */
    record Forecast(String place, String position, String grid, Instant issued) {

        String file() {
            return "nws-" + place + "-" + ISSUED.format(issued) + ".json";
        }

        String pointFile() {
            return "nws-" + place + "-point.json";
        }
    }

    /** Every forecast, from the index. */
    static List<Forecast> forecasts() {
        return text("index.csv")
                .lines()
                .skip(1)
                .map(line -> line.split(",", -1))
                .map(c -> new Forecast(
                        c[0], c[1] + "," + c[2], c[3] + "," + c[4], Instant.parse(c[5])))
                .toList();
    }

    /** The newest forecast for a grid cell that was issued by a moment. */
    static Optional<Forecast> newest(List<Forecast> all, String grid, Instant now) {
        return all.stream()
                .filter(f -> f.grid().equals(grid) && !f.issued().isAfter(now))
                .max(Comparator.comparing(Forecast::issued));
    }

    static String text(String file) {
        return new String(bytes(FOLDER + file), StandardCharsets.UTF_8);
    }

    /** A file of the class path. */
    static byte[] bytes(String path) {
        try (InputStream in = DemoFiles.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + path);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + path, e);
        }
    }
}
