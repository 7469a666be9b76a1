package rainward.intake;

/**
 * Something wrong, or merely doubtful, in a file of the person.
 *
 * @param file as the person named it
 * @param place line or feature; empty where it concerns the whole file
 * @param found what is there
 * @param remedy what would be right
 */
public record InputFault(String file, String place, String found, String remedy) {

    /** One line for the user. */
    public String words() {
        return file + (place.isEmpty() ? "" : " " + place) + ": " + found + "; " + remedy + ".";
    }
}
