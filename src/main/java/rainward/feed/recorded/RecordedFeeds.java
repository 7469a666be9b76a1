package rainward.feed.recorded;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.feed.recorded.RecordedAnswer.Verdict;

/**
 * Runs recorded responses through the real clients against a server on this machine, and compares
 * what comes out with what a plain reading of the file says. Behind {@code verify feed}.
 */
public final class RecordedFeeds {

    private RecordedFeeds() {}

    /**
     * What came of it.
     *
     * @param responses recorded responses that were read
     * @param asExpected those that came out as they should: data without loss, errors as the errors
     *     they are, broken parts named and left out
     * @param findings what there is to tell, by file
     */
    public record Report(int responses, int asExpected, List<Finding> findings) {

        public Report {
            findings = List.copyOf(findings);
        }
    }

    /**
     * Something to tell of a file.
     *
     * @param file path below the folder
     * @param source whose response
     * @param what in words; begins with "not as expected" where it should have been otherwise
     */
    public record Finding(String file, String source, String what) {}

    /**
     * Reads every response below {@code nws/}, {@code met-norway/} and {@code open-meteo/}.
     *
     * @param folder that holds them
     * @return the report
     * @throws IOException where the folder cannot be read
     */
    public static Report verify(Path folder) throws IOException {
        List<Finding> findings = new ArrayList<>();
        int responses = 0;
        int asExpected = 0;
        try (RecordedAnswer answers = new RecordedAnswer()) {
            for (Path path : files(folder)) {
                String source = source(folder, path).orElseThrow();
                Verdict verdict = answers.check(source, Recording.of(folder, path));
                String file = folder.relativize(path).toString().replace('\\', '/');
                verdict.says().forEach(what -> findings.add(new Finding(file, source, what)));
                responses += verdict.isResponse() ? 1 : 0;
                asExpected += verdict.isResponse() && verdict.asExpected() ? 1 : 0;
            }
        }
        return new Report(responses, asExpected, findings);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .filter(p -> isRecording(p.getFileName().toString()))
                    .filter(p -> source(folder, p).isPresent())
                    .sorted()
                    .toList();
        }
    }

    private static boolean isRecording(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return !lower.equals("manifest.json")
                && !lower.startsWith("readme")
                && lower.matches(".*\\.(json|geojson|jsonld|txt|html?)");
    }

    /** The service, by the outermost folder of its name. */
    private static Optional<String> source(Path folder, Path path) {
        for (Path part : folder.toAbsolutePath().getFileName().resolve(folder.relativize(path))) {
            String name = part.toString();
            if (name.equals("nws") || name.equals("met-norway") || name.equals("open-meteo")) {
                return Optional.of(name);
            }
        }
        return Optional.empty();
    }
}
