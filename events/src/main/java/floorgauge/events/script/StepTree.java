package floorgauge.events.script;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Every order in which the steps of one way through a script may come; orders that begin alike share their beginning. */
final class StepTree {

    /** A step in its place in an order; the root has none. */
    static final class Node {
        private final int step;
        private final Optional<Node> before;
        private final List<Node> next = new ArrayList<>();

        private Node(int step, Optional<Node> before) {
            this.step = step;
            this.before = before;
        }

        /** Index of the step in {@link StepTree#steps()}; -1 at the root. */
        int step() {
            return step;
        }

        /** What may follow; nothing at the end of an order. */
        List<Node> next() {
            return next;
        }

        private Node then(int following) {
            for (Node node : next) {
                if (node.step == following) {
                    return node;
                }
            }
            Node node = new Node(following, Optional.of(this));
            next.add(node);
            return node;
        }
    }

    private final List<ScriptStep> steps;
    private final Node root = new Node(-1, Optional.empty());

    /** @param variant steps of one way through a script's alternatives */
    StepTree(List<ScriptStep> variant) {
        this.steps = List.copyOf(variant);
        for (List<ScriptStep> order : SequenceAligner.orders(steps)) {
            Node node = root;
            for (ScriptStep step : order) {
                node = node.then(steps.indexOf(step));
            }
        }
    }

    List<ScriptStep> steps() {
        return steps;
    }

    Node root() {
        return root;
    }

    /** The steps up to a node, in order. */
    List<ScriptStep> orderTo(Node last) {
        List<ScriptStep> order = new ArrayList<>();
        for (Optional<Node> at = Optional.of(last); at.isPresent() && at.get().step >= 0; at = at.get().before) {
            order.add(0, steps.get(at.get().step));
        }
        return order;
    }
}
