package rainward.queue.shop;

/**
 * Where a task went.
 *
 * @param item index
 * @param task what was placed
 * @param hand who does it
 * @param start of work [min]
 * @param finish of work [min]
 * @param drive minutes of the machine on the road before it
 * @param setting minutes to set the machine for another mix, before it
 * @param option index of what is sown; below zero where nothing is
 */
public record Placement(
        int item,
        Task task,
        Task.Hand hand,
        int start,
        int finish,
        int drive,
        int setting,
        int option) {}
