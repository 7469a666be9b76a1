package rainward.daemon.settings;

/**
 * Something wrong, or merely unwise, in the settings file.
 *
 * @param file its path as the user gave it
 * @param line counted from 1; 0 where it concerns the whole file
 * @param key path of the key, entries of a list counted from 1: {@code machine[2].width}
 * @param found what is there, in words; a secret never is
 * @param remedy what would be right
 */
public record Fault(String file, int line, String key, String found, String remedy) {

    /** One line for the user. */
    public String words() {
        String place = line > 0 ? file + ":" + line : file;
        String what = key.isEmpty() ? found : key + " " + found;
        return place + ": " + what + "; " + remedy + ".";
    }
}
