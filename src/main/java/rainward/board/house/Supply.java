package rainward.board.house;

/**
 * Something in the shed.
 *
 * @param item its name
 * @param words how much there is, what the plan takes, and what to do
 * @param lacking true where it is not enough
 */
public record Supply(String item, String words, boolean lacking) {

    /** The words behind the name that they mostly begin with. */
    public String rest() {
        return words.startsWith(item + " ") ? words.substring(item.length()) : ": " + words;
    }
}
