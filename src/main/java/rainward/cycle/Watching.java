package rainward.cycle;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.farm.Field;
import rainward.queue.problem.Plan;
import rainward.window.PropertyWatch;
import rainward.window.WindowDecider;
import rainward.window.WindowDetector;

/**
 * Storm windows over what was reckoned and planned.
 *
 * @param input of the round
 */
record Watching(CycleInput input) {

    /** What is to be said of windows, and remembered. */
    WindowDecider.Decided windows(List<FieldReckoning> reckoned, Plan plan) {
        return WindowDecider.decide(
                input.memory().windows(),
                WindowDetector.detect(
                        watches(reckoned),
                        plan,
                        input.roster().crew(),
                        input.rules().windows().watch(),
                        input.asOf()),
                input.rules().windows(),
                input.asOf());
    }

    private List<PropertyWatch> watches(List<FieldReckoning> reckoned) {
        Map<String, List<FieldReckoning>> byProperty = reckoned.stream()
                .collect(Collectors.groupingBy(
                        f -> f.item().field().property(), TreeMap::new, Collectors.toList()));
        List<PropertyWatch> watches = new ArrayList<>();
        byProperty.forEach((name, fields) -> Optional.ofNullable(
                        input.roster().properties().get(name))
                .ifPresent(property -> watches.add(new PropertyWatch(
                        property,
                        fields.get(0).traces(),
                        fields.stream().map(this::pending).toList()))));
        return watches;
    }

    private PropertyWatch.Pending pending(FieldReckoning reckoning) {
        Field field = reckoning.item().field();
        return new PropertyWatch.Pending(field, input.roster().mixesOf(field).get(0));
    }
}
