package rainward.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.farm.MappedField;
import rainward.farm.Survey;
import rainward.store.journal.Hollows;

/** A second process on a data folder, for tests that need a real one. */
final class Bystander {

    private Bystander() {}

    /** Holds a folder, or writes to it without end, telling each field that is confirmed. */
    public static void main(String[] args) throws Exception {
        Path home = Path.of(args[1]);
        if (args[0].equals("hold")) {
            try (FolderLock lock = FolderLock.take(home)) {
                System.out.println("held " + lock.getClass().getSimpleName());
                Thread.sleep(60_000);
            }
            return;
        }
        try (Store store = Store.open(home)) {
            for (int i = 0; ; i++) {
                String name = "Strip " + i;
                store.inTransaction(books -> books.fields()
                        .take(
                                new Survey(
                                        List.of(Hollows.PROPERTY),
                                        List.of(),
                                        List.of(new MappedField(
                                                Hollows.field(name, 1), Optional.empty()))),
                                Hollows.JULY));
                System.out.println(name);
            }
        }
    }

    static Process start(String role, Path home) throws IOException {
        List<String> command = Stream.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx128m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Bystander.class.getName(),
                        role,
                        home.toString())
                .toList();
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
