package rainward.board.house;

/** Takes down what a person says. */
public interface Takes {

    /**
     * Writes it down at once and has the order made anew; told twice with the same key, it stands
     * there once and the first answer comes again.
     */
    Taken take(Saying saying);

    /**
     * What came of it.
     *
     * @param outcome written, already so or refused
     * @param words for the person
     */
    record Taken(String outcome, String words) {

        public boolean refused() {
            return outcome.equals("refused");
        }
    }
}
