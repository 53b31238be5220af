package floorgauge.events.spacing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The convex hull of a few points (Andrew, Another Efficient Algorithm for Convex Hulls in Two Dimensions, 1979). */
public final class ConvexHull {

    private ConvexHull() {}

    /**
     * @param points each x and y
     * @return indexes of the corners, counterclockwise; every index of fewer than three points, two of collinear ones
     */
    public static int[] corners(double[][] points) {
        Integer[] order = new Integer[points.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> {
            int byX = Double.compare(points[a][0], points[b][0]);
            return byX != 0 ? byX : Double.compare(points[a][1], points[b][1]);
        });
        if (points.length < 3) {
            return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
        }
        List<Integer> lower = chain(points, Arrays.asList(order));
        List<Integer> reversed = new ArrayList<>(Arrays.asList(order));
        java.util.Collections.reverse(reversed);
        List<Integer> upper = chain(points, reversed);
        List<Integer> all = new ArrayList<>(lower.subList(0, lower.size() - 1));
        all.addAll(upper.subList(0, upper.size() - 1));
        return all.stream().mapToInt(Integer::intValue).toArray();
    }

    private static List<Integer> chain(double[][] points, List<Integer> order) {
        List<Integer> chain = new ArrayList<>();
        for (int next : order) {
            while (chain.size() >= 2
                    && !turnsLeft(points, chain.get(chain.size() - 2), chain.get(chain.size() - 1), next)) {
                chain.remove(chain.size() - 1);
            }
            chain.add(next);
        }
        return chain;
    }

    private static boolean turnsLeft(double[][] p, int a, int b, int c) {
        return (p[b][0] - p[a][0]) * (p[c][1] - p[a][1]) - (p[b][1] - p[a][1]) * (p[c][0] - p[a][0]) > 0;
    }

    /** Area in the square of the points' unit; 0 for fewer than three points. */
    public static double area(double[][] points) {
        int[] corners = corners(points);
        double twice = 0;
        for (int k = 0; k < corners.length; k++) {
            double[] a = points[corners[k]];
            double[] b = points[corners[(k + 1) % corners.length]];
            twice += a[0] * b[1] - a[1] * b[0];
        }
        return Math.abs(twice) / 2;
    }
}
