package org.fusewright.papers;

import org.fusewright.core.sizing.LogAxis;
import org.fusewright.core.sizing.TimeCurrentChart.Point;

import java.util.List;

/** Where the two axes of a time-current chart lie, by the left lower corner of what they span. */
record PlotArea(LogAxis currentA, LogAxis timeS, float left, float bottom, float width) {

    static final float HEIGHT = 162;

    float right() {
        return left + width;
    }

    float top() {
        return bottom + HEIGHT;
    }

    float x(double amperes) {
        return left + (float) currentA.share(amperes) * width;
    }

    float y(double seconds) {
        return bottom + (float) timeS.share(seconds) * HEIGHT;
    }

    /** The places of points, x and y in turn. */
    float[] places(List<Point> points) {
        float[] places = new float[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            places[2 * i] = x(points.get(i).currentA());
            places[2 * i + 1] = y(points.get(i).seconds());
        }
        return places;
    }
}
