package rainward.brief.page;

import rainward.brief.RainPanel;

/** Where a page finds the picture of a rain panel. */
@FunctionalInterface
public interface Pictures {

    /**
     * Address of a picture.
     *
     * @param number of the panel, from 0
     * @param panel that it shows
     * @return for instance {@code cid:rain-0}
     */
    String source(int number, RainPanel panel);
}
