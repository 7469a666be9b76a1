package rainward.queue.shop;

/** Which mix each seeding machine holds, and how long it takes to set it for another. */
final class Boxes {

    private final Hands hands;
    private final int[] changeMinutes;
    private final boolean tell;
    private boolean set;

    Boxes(Shop shop, Hands hands) {
        this.hands = hands;
        changeMinutes = shop.crew().seeders().changeMinutes();
        tell = hands.tellMixes();
    }

    /** True while work is placed that goes on already: its machine is set, whatever it sows. */
    void areSet(boolean yes) {
        set = yes;
    }

    /** Minutes to set a machine for a mix; an empty one was set before it set out. */
    int change(int[] row, int machine, int mix) {
        if (!tell || set || mix < 0) {
            return 0;
        }
        int held = hands.mix(row, machine);
        return held < 0 || held == mix ? 0 : changeMinutes[machine];
    }

    /** Fewest minutes to set a machine for any mix that a task may sow. */
    int leastChange(int[] row, int machine, Task task) {
        if (!tell || set || task.seeds().isEmpty()) {
            return 0;
        }
        Yield yield = task.seeds().get();
        int least = Integer.MAX_VALUE;
        for (int o = 0; o < yield.options(); o++) {
            least = Math.min(least, change(row, machine, yield.option(o).mix()));
        }
        return least == Integer.MAX_VALUE ? 0 : least;
    }

    /** A machine sows a mix. */
    void fill(int[] row, int machine, int mix) {
        if (tell && mix >= 0) {
            hands.fill(row, machine, mix);
        }
    }
}
