package rainward.daemon.settings;

/** A password or key: used, never shown. */
public final class Secret {

    private final String value;

    Secret(String value) {
        this.value = value;
    }

    /** The secret itself, for the one who has to prove it. */
    public String reveal() {
        return value;
    }

    @Override
    public String toString() {
        return "(not shown)";
    }
}
