package rainward.queue.reasons;

import rainward.queue.problem.PlanItem;

/**
 * Why an item starts when it does.
 *
 * @param item of the plan
 * @param binding what keeps it from starting sooner
 * @param words for the user
 */
public record ItemReason(PlanItem item, Binding binding, String words) {}
