package rainward.board.house;

/**
 * What a look at one part of the service gave.
 *
 * @param what was looked at
 * @param well nothing is to be done about it
 * @param words how it stands, or what to do
 */
public record Mark(String what, boolean well, String words) {}
