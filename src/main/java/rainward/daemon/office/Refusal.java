package rainward.daemon.office;

import java.util.List;

/**
 * A command that cannot do what was asked, said in words for the person. It ends the program
 * without a stack trace.
 */
public final class Refusal extends RuntimeException {

    /** Exit code for settings and arguments that are wrong. */
    public static final int BAD_INPUT = 2;

    /** Exit code for a world that does not play along: a service down, a mail refused. */
    public static final int BAD_WORLD = 1;

    private static final long serialVersionUID = 1;

    private final int exitCode;

    private Refusal(int exitCode, String words) {
        super(words);
        this.exitCode = exitCode;
    }

    /** What the person gave is wrong; every fault on a line of its own. */
    public static Refusal badInput(List<String> faults) {
        return new Refusal(BAD_INPUT, String.join(System.lineSeparator(), faults));
    }

    public static Refusal badInput(String fault) {
        return badInput(List.of(fault));
    }

    /** The world stands in the way. */
    public static Refusal badWorld(String words) {
        return new Refusal(BAD_WORLD, words);
    }

    public int exitCode() {
        return exitCode;
    }
}
