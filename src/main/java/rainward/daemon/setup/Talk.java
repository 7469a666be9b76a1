package rainward.daemon.setup;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Map;
import java.util.Optional;
import rainward.daemon.office.Refusal;

/**
 * Asks until an answer is right.
 *
 * @param in what is typed
 * @param out where the questions stand
 */
record Talk(BufferedReader in, PrintWriter out) {

    /**
     * The answer that was given beforehand, or else typed now.
     *
     * @param given by question
     * @param usual taken for an empty line
     */
    String answer(Question question, Map<Question, String> given, Optional<String> usual) {
        String before = given.get(question);
        if (before != null) {
            return question.fault(before)
                    .map(fault -> {
                        throw Refusal.badInput(
                                option(question) + " " + before + ": " + fault + ".");
                    })
                    .map(String::valueOf)
                    .orElse(before);
        }
        while (true) {
            String typed = typed(question, usual);
            Optional<String> fault = question.fault(typed);
            if (fault.isEmpty()) {
                return typed;
            }
            out.println("\"" + typed + "\" " + fault.get() + ".");
        }
    }

    private String typed(Question question, Optional<String> usual) {
        out.print(question.words() + usual.map(u -> " [" + u + "]").orElse("") + " ");
        out.flush();
        String line = line().orElseThrow(() -> Refusal.badInput(
                "There is nobody to answer: give " + option(question) + " and the others."));
        return line.isEmpty() ? usual.orElse(line) : line;
    }

    Optional<String> line() {
        try {
            return Optional.ofNullable(in.readLine()).map(String::strip);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static String option(Question question) {
        return "--" + question.name().toLowerCase(java.util.Locale.ROOT);
    }
}
