package rainward.weather.rain;

import java.util.List;
import java.util.function.Function;
import rainward.farm.Require;
import rainward.farm.Window;

/** Intervals in order of time that do not overlap; gaps are allowed. */
public final class InOrder {

    private InOrder() {}

    public static <T> List<T> checked(String name, List<T> all, Function<T, Window> window) {
        for (int i = 1; i < all.size(); i++) {
            Window before = window.apply(all.get(i - 1));
            Window here = window.apply(all.get(i));
            Require.that(
                    !here.from().isBefore(before.to()),
                    () -> name + ": " + here + " starts before " + before + " ends");
        }
        return List.copyOf(all);
    }
}
