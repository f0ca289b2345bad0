package org.fusewright.papers;

import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.List;

/** Finds the rectangles of a page. */
final class RectangleReader extends PDFGraphicsStreamEngine {

    private final int page;
    private final List<PrintedPaper.Rectangle> found;

    RectangleReader(PDPage page, int number, List<PrintedPaper.Rectangle> found) {
        super(page);
        this.page = number;
        this.found = found;
    }

    void read() throws IOException {
        processPage(getPage());
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        double top = getPage().getMediaBox().getHeight() - Math.max(p0.getY(), p2.getY());
        found.add(
                new PrintedPaper.Rectangle(
                        page,
                        Math.min(p0.getX(), p2.getX()),
                        top,
                        Math.abs(p2.getX() - p0.getX()),
                        Math.abs(p2.getY() - p0.getY())));
    }

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int windingRule) {}

    @Override
    public void moveTo(float x, float y) {}

    @Override
    public void lineTo(float x, float y) {}

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

    @Override
    public Point2D getCurrentPoint() {
        return new Point2D.Float();
    }

    @Override
    public void closePath() {}

    @Override
    public void endPath() {}

    @Override
    public void strokePath() {}

    @Override
    public void fillPath(int windingRule) {}

    @Override
    public void fillAndStrokePath(int windingRule) {}

    @Override
    public void shadingFill(COSName shading) {}
}
