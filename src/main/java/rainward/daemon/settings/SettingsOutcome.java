package rainward.daemon.settings;

import java.util.List;
import java.util.stream.Collectors;

/** What came of reading the settings file. */
public sealed interface SettingsOutcome {

    /**
     * They can be used.
     *
     * @param settings as read
     * @param warnings what is unwise about them
     */
    record Usable(Settings settings, List<Fault> warnings) implements SettingsOutcome {
        public Usable {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * They cannot be used.
     *
     * @param faults all of them, in the order of the file
     */
    record SettingsFaults(List<Fault> faults) implements SettingsOutcome {
        public SettingsFaults {
            faults = List.copyOf(faults);
        }

        /** A line for each fault. */
        public String words() {
            return faults.stream().map(Fault::words).collect(Collectors.joining("\n"));
        }
    }
}
