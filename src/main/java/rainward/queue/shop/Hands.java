package rainward.queue.shop;

/**
 * The state of machines and people after part of an order: one row of numbers, cheap to copy. The
 * row holds, for each machine, when it is free, where it stands and its last task; then, for each
 * person, when and where they are free; then notes; then, where mixes change, what each holds.
 */
final class Hands {

    private final int machines;
    private final int people;
    private final int mixesFrom;
    private final int length;

    /** A row for a shop, with so many notes. */
    Hands(Shop shop, int notes) {
        machines = shop.machines();
        people = shop.people();
        mixesFrom = 3 * machines + 2 * people + notes;
        length = mixesFrom + (shop.changesMix() ? machines : 0);
    }

    int length() {
        return length;
    }

    /** Remembers a number with the state: when work that was under way ended. */
    void note(int[] row, int index, int value) {
        row[3 * machines + 2 * people + index] = value;
    }

    int noted(int[] row, int index) {
        return row[3 * machines + 2 * people + index];
    }

    /** Everybody free at {@code now}, where they are. */
    int[] atStart(Shop shop) {
        int[] row = new int[length()];
        for (int m = 0; m < machines; m++) {
            row[m] = shop.now();
            row[machines + m] = shop.crew().machineSite()[m];
            row[2 * machines + m] = -1;
        }
        for (int m = 0; mixesFrom + m < length; m++) {
            row[mixesFrom + m] = shop.crew().seeders().holds()[m];
        }
        for (int p = 0; p < people; p++) {
            row[3 * machines + p] = shop.now();
            row[3 * machines + people + p] = shop.crew().personSite()[p];
        }
        return row;
    }

    int machineSite(int[] row, int machine) {
        return row[machines + machine];
    }

    int lastTask(int[] row, int machine) {
        return row[2 * machines + machine];
    }

    /** True where it is of account what machines hold. */
    boolean tellMixes() {
        return mixesFrom < length;
    }

    /** What a machine holds; below zero: nothing. */
    int mix(int[] row, int machine) {
        return row[mixesFrom + machine];
    }

    /** A machine sows a mix. */
    void fill(int[] row, int machine, int mix) {
        row[mixesFrom + machine] = mix;
    }

    /** First minute at which the person can be on the machine, both free. */
    int together(int[] row, int machine, int person, Shop.Ways ways) {
        int site = row[3 * machines + people + person];
        int hop = site < 0 ? 0 : ways.car()[site * ways.sites() + row[machines + machine]];
        return Math.max(row[machine], row[3 * machines + person] + hop);
    }

    void finish(int[] row, Task task, Task.Hand hand, int finish) {
        row[hand.machine()] = finish;
        row[machines + hand.machine()] = task.site();
        row[2 * machines + hand.machine()] = task.habit().id();
        row[3 * machines + hand.person()] = finish;
        row[3 * machines + people + hand.person()] = task.site();
    }
}
