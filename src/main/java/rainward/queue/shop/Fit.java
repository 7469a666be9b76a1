package rainward.queue.shop;

/** Looks for the first stretch of open time that holds a piece of work. */
final class Fit {

    private int start;
    private int finish;

    /** Start found by the last {@link #find} that was true [min]. */
    int start() {
        return start;
    }

    /** Finish found by the last {@link #find} that was true [min]. */
    int finish() {
        return finish;
    }

    /**
     * Finds the earliest start, in one go, or over nights where the work is long.
     *
     * @param open when work may go on
     * @param ready not before [min]
     * @param minutes of work
     * @param overtime by working day, whether it is used
     * @return false where it does not fit
     */
    boolean find(OpenTime open, int ready, int minutes, boolean[] overtime) {
        boolean mayRest = minutes > OpenTime.IN_ONE_GO_MINUTES;
        int least = mayRest ? OpenTime.LEAST_PART_MINUTES : minutes;
        for (int k = open.at(ready); k < open.count(); k++) {
            int begin = Math.max(ready, open.from(k));
            int ahead = open.end(k, overtime) - begin;
            if (ahead >= minutes) {
                start = begin;
                finish = begin + minutes;
                return true;
            }
            if (mayRest && ahead >= least && goesOn(open, k, minutes - ahead, overtime)) {
                start = begin;
                return true;
            }
        }
        return false;
    }

    private boolean goesOn(OpenTime open, int broken, int minutes, boolean[] overtime) {
        int left = minutes;
        int stopped = open.end(broken, overtime);
        for (int k = broken + 1; k < open.count(); k++) {
            int begin = open.from(k);
            int end = open.end(k, overtime);
            if (end <= begin) {
                continue;
            }
            if (begin - stopped > OpenTime.GREATEST_PAUSE_MINUTES) {
                return false;
            }
            if (end - begin >= left) {
                finish = begin + left;
                return true;
            }
            left -= end - begin;
            stopped = end;
        }
        return false;
    }

    /** Earliest departure for a drive in one go; below zero where there is none [min]. */
    static int departure(OpenTime drive, int ready, int minutes, boolean[] overtime) {
        for (int k = drive.at(ready); k < drive.count(); k++) {
            int begin = Math.max(ready, drive.from(k));
            if (drive.end(k, overtime) - begin >= minutes) {
                return begin;
            }
        }
        return -1;
    }
}
