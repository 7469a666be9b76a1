package rainward.daemon.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.post.Recipient;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.input.load.Supplies;
import rainward.window.QuietHours;
import rainward.window.WindowRules;

class SettingsReaderTest {

    @TempDir
    Path folder;

    private Path changed(String old, String fresh) throws IOException {
        String text = Files.readString(Crews.USABLE);
        assertThat(text).contains(old);
        return Files.writeString(folder.resolve("rainward.toml"), text.replace(old, fresh));
    }

    private Path added(String text) throws IOException {
        return Files.writeString(
                folder.resolve("rainward.toml"), Files.readString(Crews.USABLE) + text);
    }

    @Nested
    class Values {

        @Test
        void whatIsLeftOutIsUsual() {
            Settings settings = Crews.usable(Crews.USABLE);

            assertThat(settings.weather().pace().pullEvery()).isEqualTo(Duration.ofHours(1));
            assertThat(settings.weather().sources().usual())
                    .containsExactly(Settings.Source.NWS, Settings.Source.MET_NORWAY);
            assertThat(settings.mail().briefAt()).isEqualTo(LocalTime.of(5, 0));
            assertThat(settings.mail().server().orElseThrow().port()).isEqualTo(587);
            assertThat(settings.work().crew().hours().days()).doesNotContain(DayOfWeek.SUNDAY);
        }

        @Test
        void alertsAreUsuallyGivenByTheUsualRules() {
            Settings settings = Crews.usable(Crews.USABLE);
            WindowRules rules = settings.window().rules(settings.farm().zone());
            WindowRules usual = WindowRules.usual(settings.farm().zone());

            assertThat(rules.change()).isEqualTo(usual.change());
            assertThat(rules.manners()).isEqualTo(usual.manners());
            assertThat(rules.watch().lead()).isEqualTo(usual.watch().lead());
            assertThat(rules.watch().openChance()).isEqualTo(usual.watch().openChance());
            assertThat(rules.watch().closeChance()).isEqualTo(usual.watch().closeChance());
            // Round numbers of inches and miles stand in for round numbers of millimetres and km.
            assertThat(rules.watch().hardRainMmPerH()).isCloseTo(25.4, within(1e-9));
            assertThat(rules.watch().neighbourKm()).isCloseTo(15 * 1.609_344, within(1e-9));
        }

        @Test
        void otherServerMayStandInForAService() throws IOException {
            Path file = added("\n[weather.address]\nnws = \"http://localhost:8099/us\"\n");

            assertThat(Crews.usable(file).weather().way().addresses())
                    .isEqualTo(Map.of(Settings.Server.NWS, URI.create("http://localhost:8099/us")));
        }

        @Test
        void propertyMayHaveItsOwnOrderOfSources() throws IOException {
            Path file = added(
                    "\n[[weather.property]]\nname = \"Lake\"\nsources = [\"met-norway\", \"nws\"]\n");

            Settings.Sources sources = Crews.usable(file).weather().sources();

            assertThat(sources.of("Lake"))
                    .containsExactly(Settings.Source.MET_NORWAY, Settings.Source.NWS);
            assertThat(sources.of("Hill")).isEqualTo(sources.usual());
        }

        @Test
        void absenceTakesBothDaysInTheZoneOfTheFarm() throws IOException {
            Path file = changed(
                    "machines = [\"seeder\", \"disk\"]",
                    "away = [{ from = 2026-10-31, to = 2026-11-01 }]");

            // The second of the two days has 25 hours: clocks go back.
            assertThat(Crews.usable(file).work().crew().people().get(0).absences())
                    .containsExactly(new Window(
                            Instant.parse("2026-10-31T04:00:00Z"),
                            Instant.parse("2026-11-02T05:00:00Z")));
        }

        @Test
        void recipientGetsWhatIsAskedForInUnitsOfTheirOwn() throws IOException {
            Path file = added("""
                    gets = "own-machines"
                    machines = ["disk"]
                    form = "short"
                    units = "metric"
                    """);

            assertThat(Crews.usable(file).mail().recipients())
                    .containsExactly(new Recipient(
                            "Dell",
                            Recipient.Address.mail("dell@sandhill.example"),
                            new Recipient.Wants(
                                    Recipient.Share.OWN_MACHINES,
                                    Recipient.Form.SHORT,
                                    Set.of("disk")),
                            UnitSystem.METRIC,
                            new Recipient.Quiet(QuietHours.NEVER, Duration.ofHours(2))));
        }

        @Test
        void recipientIsLeftInPeaceWhenTheySay() throws IOException {
            Path file = added("""
                    quiet_from = "20:00"
                    quiet_to = "04:30"
                    quiet_broken_for = "1 h"
                    """);

            assertThat(Crews.usable(file).mail().recipients().get(0).quiet())
                    .isEqualTo(new Recipient.Quiet(
                            new QuietHours(LocalTime.of(20, 0), LocalTime.of(4, 30)),
                            Duration.ofHours(1)));
        }

        @Test
        void farmWithoutMailIsAFarm() throws IOException {
            String text = Files.readString(Crews.USABLE);
            Path file = Files.writeString(
                    folder.resolve("rainward.toml"), text.substring(0, text.indexOf("[mail]")));

            assertThat(Crews.usable(file).mail().server()).isEmpty();
            assertThat(Crews.usable(file).mail().recipients()).isEmpty();
        }

        @Test
        void mixOfTheFarmsOwnIsReadInSi() throws IOException {
            Path file = added("""

                    [[mix]]
                    name = "yard mix"
                    depth = "0.5 in"
                    stand_target = "35 %"
                    [mix.season]
                    first_sowing = "07-05"
                    last_sowing = "08-15"
                    full_worth_until = "08-05"
                    last_emergence = "08-31"
                    [[mix.component]]
                    species = "turnip"
                    drilled = 1.5
                    broadcast = "2.8 kg/ha"
                    """);

            assertThat(Crews.usable(file).work().ownMixes()).singleElement().satisfies(mix -> {
                assertThat(mix.sowingDepthCm()).isCloseTo(1.27, within(1e-12));
                assertThat(mix.standTargetFraction()).isCloseTo(0.35, within(1e-12));
                // 1.5 lb/ac by the factors of NIST SP 811: 0.45359237 kg over 0.40468564224 ha.
                assertThat(mix.components().get(0).drilledKgPerHa())
                        .isCloseTo(1.5 * 0.45359237 / 0.40468564224, within(1e-12));
                assertThat(mix.components().get(0).broadcastKgPerHa()).isEqualTo(2.8);
            });
        }
    }

    /**
     * The same farm, written by somebody who thinks in feet and by somebody who thinks in metres.
     */
    @Nested
    class UnitsAtTheDoor {

        @Test
        void usAndMetricPeopleGetTheSameMachine() throws IOException {
            SplittableRandom any = new SplittableRandom(20260714);
            for (int i = 0; i < 60; i++) {
                double widthM = 0.5 + any.nextDouble(20);
                double speedKmh = 1 + any.nextDouble(30);
                double areaHa = 0.5 + any.nextDouble(20);
                Machine us = machine(written(UnitSystem.US_CUSTOMARY, widthM, speedKmh, areaHa));
                Machine metric = machine(written(UnitSystem.METRIC, widthM, speedKmh, areaHa));

                assertThat(us.work().widthM()).isCloseTo(widthM, within(1e-9));
                assertThat(metric.work().widthM()).isCloseTo(widthM, within(1e-9));
                assertThat(us.work().speedKmh()).isCloseTo(metric.work().speedKmh(), within(1e-9));
                assertThat(us.refill().orElseThrow().areaHa())
                        .isCloseTo(metric.refill().orElseThrow().areaHa(), within(1e-9));
            }
        }

        /** Plain numbers in the units of the file, and beside them texts with the other unit. */
        private String written(UnitSystem units, double widthM, double speedKmh, double areaHa) {
            UnitSystem other =
                    units == UnitSystem.METRIC ? UnitSystem.US_CUSTOMARY : UnitSystem.METRIC;
            return String.format(
                    Locale.ROOT,
                    """
                    units = "%s"
                    width = %.12f
                    speed = "%.12f %s"
                    refill_after = %.12f
                    """,
                    units == UnitSystem.METRIC ? "metric" : "us",
                    units.shown(Quantity.WIDTH, widthM),
                    other.shown(Quantity.SPEED, speedKmh),
                    other.symbol(Quantity.SPEED),
                    units.shown(Quantity.AREA, areaHa));
        }

        private Machine machine(String written) throws IOException {
            List<String> lines = written.lines().toList();
            String text = Files.readString(Crews.USABLE)
                    .replace("units = \"us\"", lines.get(0))
                    .replace("width = 12", lines.get(1) + "\n" + lines.get(3))
                    .replace("speed = \"4 mph\"", lines.get(2));
            Path file = Files.writeString(folder.resolve("rainward.toml"), text);
            return Crews.usable(file).work().crew().machines().get(0);
        }

        /** A short ton is 2,000 lb of 0.45359237 kg. */
        @Test
        void aSpreadersLoadIsTakenInPoundsTonsOrTonnes() throws IOException {
            for (String load : List.of("9000 lb", "4.5 tons", "4.08233133 t", "4082.33133 kg")) {
                assertThat(spreader("load = \"" + load + "\"").loadKg())
                        .as(load)
                        .isCloseTo(9_000 * 0.453_592_37, within(1e-5));
            }
        }

        @Test
        void aSpreaderLoadsAtTheFieldUnlessAPlaceIsGiven() throws IOException {
            assertThat(spreader("load = \"4 tons\"").loadsAt()).isEmpty();
            assertThat(spreader("load = \"4 tons\"\n"
                                    + "loads_at = { latitude = 42.1, longitude = -84.5 }")
                            .loadsAt())
                    .contains(new GeoPoint(42.1, -84.5));
        }

        private Supplies.Spreader spreader(String written) throws IOException {
            String machine =
                    Crews.usable(Crews.USABLE).work().crew().machines().get(0).name();
            String text = Files.readString(Crews.USABLE) + "\n[[spreader]]\nmachine = \"" + machine
                    + "\"\n" + written + "\n";
            Path file = Files.writeString(folder.resolve("rainward.toml"), text);
            return Objects.requireNonNull(
                    Crews.usable(file).inputs().gear().spreaders().get(machine));
        }

        @Test
        void unitsAreKnownByTheirOtherSpellings() throws IOException {
            assertThat(Crews.usable(changed("\"14 ft\"", "\"14 feet\""))
                            .work()
                            .crew()
                            .machines()
                            .get(1)
                            .work()
                            .widthM())
                    .isCloseTo(14 * 0.3048, within(1e-12));
        }
    }

    @Nested
    class Secrets {

        private static final String LOGIN = "user = \"yard\"\npassword_file = \"mail.password\"\n";

        @Test
        void passwordComesFromItsFileAndIsNeverShown() throws IOException {
            Files.writeString(folder.resolve("mail.password"), "swordfish\n");
            Settings settings = Crews.usable(changed("host = \"mail", LOGIN + "host = \"mail"));

            assertThat(settings.mail()
                            .server()
                            .orElseThrow()
                            .login()
                            .orElseThrow()
                            .password()
                            .reveal())
                    .isEqualTo("swordfish");
            assertThat(settings.toString()).doesNotContain("swordfish").contains("(not shown)");
        }

        @Test
        void passwordComesFromTheEnvironment() throws IOException {
            Path file = changed(
                    "host = \"mail", "user = \"yard\"\npassword_env = \"MAIL\"\nhost = \"mail");
            SettingsOutcome outcome = Crews.reader(Map.of("MAIL", "swordfish")).read(file);

            assertThat(outcome).isInstanceOf(SettingsOutcome.Usable.class);
            assertThat(outcome.toString()).doesNotContain("swordfish");
        }

        @Test
        void fileThatOthersCanReadIsWarnedOf() throws IOException {
            Assumptions.assumeTrue(
                    Files.getFileStore(folder).supportsFileAttributeView("posix"),
                    "skipped: this disk knows no owner's permissions");
            Path secret = Files.writeString(folder.resolve("mail.password"), "swordfish");
            Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-r--r--"));
            Path file = changed("host = \"mail", LOGIN + "host = \"mail");

            assertThat(warnings(file))
                    .containsExactly(file + ":48: mail.password_file names " + secret
                            + ", which others can read; take their right away: chmod 600 " + secret
                            + ".");
            Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
            assertThat(warnings(file)).isEmpty();
        }

        @Test
        void fileThatIsNotThereIsAFault() throws IOException {
            Path file = changed("host = \"mail", LOGIN + "host = \"mail");

            assertThat(Crews.faults(file))
                    .containsExactly(file + ":48: mail.password_file names "
                            + folder.resolve("mail.password")
                            + ", which cannot be read; write the password into it and make it yours"
                            + " alone (chmod 600).");
        }

        @Test
        void passwordInTheClearToAnotherMachineIsAFault() throws IOException {
            Files.writeString(folder.resolve("mail.password"), "swordfish");
            Path file = changed("host = \"mail", LOGIN + "security = \"none\"\nhost = \"mail");

            assertThat(Crews.faults(file))
                    .anyMatch(words -> words.endsWith("mail.security = \"none\"; must be"
                            + " \"starttls\" or \"tls\" where there is a password and the server is"
                            + " another machine."));
        }

        @Test
        void passwordInTheClearOnThisMachineIsUsable() throws IOException {
            Files.writeString(folder.resolve("mail.password"), "swordfish");
            String host = "host = \"mail.sandhill.example\"";
            Path file = changed(host, LOGIN + "security = \"none\"\nhost = \"localhost\"");

            assertThat(Crews.usable(file).mail().server().orElseThrow().login()).isPresent();
        }

        @Test
        void secretUnderAnUnknownTableIsNotShown() throws IOException {
            Path file = added("\n[male]\npassword = \"swordfish\"\n");

            assertThat(Crews.faults(file)).singleElement().asString().doesNotContain("swordfish");
        }

        private List<String> warnings(Path file) {
            SettingsOutcome outcome = Crews.reader().read(file);
            assertThat(outcome).isInstanceOf(SettingsOutcome.Usable.class);
            return ((SettingsOutcome.Usable) outcome)
                    .warnings().stream().map(Fault::words).toList();
        }
    }
}
