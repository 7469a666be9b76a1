package rainward.board.door;

/**
 * Somebody who may come in from the network.
 *
 * @param name as the crew says it
 * @param role what they may do
 * @param pinHash of their PIN, by {@link PinHash}
 */
public record Person(String name, Role role, String pinHash) {}
