package rainward.daemon.setup;

import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Pattern;
import rainward.farm.NearestName;

/** The five questions, and what is wrong with an answer. */
enum Question {
    NAME("What is your farm or crew called? It stands at the top of each mail.") {
        @Override
        Optional<String> fault(String answer) {
            return wrongUnless(
                    !answer.isEmpty() && answer.length() <= 60,
                    "a name of one to sixty characters");
        }
    },
    ZONE("In which time zone do your days begin, for instance America/Detroit?") {
        @Override
        Optional<String> fault(String answer) {
            String near =
                    NearestName.of(answer, ZoneId.getAvailableZoneIds()).orElse("America/Detroit");
            return wrongUnless(
                    ZoneId.getAvailableZoneIds().contains(answer),
                    "a zone of the tz database; the nearest is " + near);
        }
    },
    UNITS("Do you reckon in us units (acres, inches) or metric ones? us or metric") {
        @Override
        Optional<String> fault(String answer) {
            return wrongUnless(answer.equals("us") || answer.equals("metric"), "us or metric");
        }
    },
    MAIL("Your mail address? The weather services want one, and the brief goes there.") {
        @Override
        Optional<String> fault(String answer) {
            return wrongUnless(
                    ADDRESS.matcher(answer).matches(), "an address like yard@farm.example");
        }
    },
    SERVER("Through which server do you send mail, for instance smtp.farm.example:587?"
            + " none: the page only") {
        @Override
        Optional<String> fault(String answer) {
            return wrongUnless(
                    answer.equals(NO_SERVER) || HOST.matcher(answer).matches(),
                    "host or host:port, or none");
        }
    };

    static final String NO_SERVER = "none";

    private static final Pattern ADDRESS = Pattern.compile("[^\\s@<>\"\\\\]+@[^\\s@<>\"\\\\]+");
    private static final Pattern HOST = Pattern.compile("[A-Za-z0-9.-]+(:[0-9]{1,5})?");

    private final String words;

    Question(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /** What would be right; empty where the answer is. */
    abstract Optional<String> fault(String answer);

    private static Optional<String> wrongUnless(boolean right, String remedy) {
        return right ? Optional.empty() : Optional.of("must be " + remedy);
    }
}
