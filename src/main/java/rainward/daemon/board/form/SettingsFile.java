package rainward.daemon.board.form;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rainward.board.house.Entry;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Fault;
import rainward.daemon.settings.Settings;
import rainward.daemon.settings.SettingsOutcome;

/** The settings file of the data folder, changed whole and only where it has no fault. */
public final class SettingsFile {

    /** Changes come one after the other, from whichever page. */
    private static final Object ONE_AT_A_TIME = new Object();

    private final Office office;
    private final Path file;

    public SettingsFile(Office office) {
        this.office = office;
        this.file = office.home().settings();
    }

    /** As it is now; empty where it does not lie in the data folder. */
    public Optional<String> text() {
        try {
            return Files.exists(file) ? Optional.of(Files.readString(file)) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /**
     * Keeps another text; the one before stays beside it.
     *
     * @param text of the whole file
     * @param seen the text that it was made from, where somebody typed it
     * @throws Refusal with every fault, each with its line
     */
    public String keep(String text, Optional<String> seen) {
        try {
            return change(before -> whole(before, text, seen));
        } catch (Faulty faulty) {
            throw inWords(faulty);
        }
    }

    private static String whole(String before, String text, Optional<String> seen) {
        if (seen.isPresent() && !Entry.fingerprint(before).equals(seen.get())) {
            throw Refusal.badInput("The settings were changed meanwhile, by a form or by hand:"
                    + " load the page again and put your change into what stands there now.");
        }
        return text.replace("\r\n", "\n");
    }

    /** Keeps what a change makes of the text that stands there. */
    String change(Function<String, String> change) {
        synchronized (ONE_AT_A_TIME) {
            String before = text().orElseThrow(() -> Refusal.badInput("The settings do not lie in"
                    + " the data folder; change them there where they lie."));
            String after = change.apply(before);
            return after.equals(before)
                    ? "Nothing was changed."
                    : put(after.endsWith("\n") ? after : after + "\n");
        }
    }

    private String put(String text) {
        Path fresh = file.resolveSibling("rainward.new.toml");
        try {
            Files.writeString(fresh, text);
            Settings read = read(fresh);
            office.mustFit(read);
            Files.copy(
                    file,
                    file.resolveSibling("rainward.before.toml"),
                    StandardCopyOption.REPLACE_EXISTING);
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
            return office.adopt(read)
                    ? "The settings are kept. Crew, machines, recipes, mixes and shed hold from now"
                            + " on, everything else from the next start of the service."
                    : "The settings are kept; they hold from the next start of the service on.";
        } catch (IOException e) {
            throw Refusal.badWorld("The settings cannot be written: " + e.getMessage());
        } finally {
            remove(fresh);
        }
    }

    private Settings read(Path fresh) {
        SettingsOutcome outcome = Office.read(fresh, System.getenv());
        if (outcome instanceof SettingsOutcome.SettingsFaults faulty) {
            throw new Faulty(faulty.faults());
        }
        return ((SettingsOutcome.Usable) outcome).settings();
    }

    /** The changed text has faults. */
    static final class Faulty extends RuntimeException {

        private static final long serialVersionUID = 1;

        private final transient List<Fault> faults;

        Faulty(List<Fault> faults) {
            super(faults.size() + " faults");
            this.faults = List.copyOf(faults);
        }

        List<Fault> faults() {
            return faults;
        }
    }

    /** Faults of a whole text, each with its line. */
    private static Refusal inWords(Faulty faulty) {
        return Refusal.badInput(faulty.faults().stream()
                .map(f -> (f.line() > 0 ? "line " + f.line() + ": " : "")
                        + (f.key().isEmpty() ? "" : f.key() + " ") + f.found() + "; " + f.remedy()
                        + ".")
                .toList());
    }

    private static void remove(Path fresh) {
        try {
            Files.deleteIfExists(fresh);
        } catch (IOException e) {
            fresh.toFile().deleteOnExit();
        }
    }
}
