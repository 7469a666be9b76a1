package rainward.board.page;

import java.util.List;

/**
 * The door: name and PIN.
 *
 * @param farm whose board it is
 * @param names of those who may come in
 * @param token that the form carries
 * @param back where to go on
 * @param words why somebody was not let in; else empty
 */
public record DoorPage(String farm, List<String> names, String token, String back, String words) {}
