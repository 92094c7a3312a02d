package dev.reelproof.pdf;

/** How tightly the table and the plots are set; the first that keeps the certificate within its pages is taken. */
enum Density {
    ROOMY(7, 2, 3),
    DENSE(6.2f, 2, 4),
    TIGHT(5.4f, 3, 5);

    private final float tableSize;
    private final int plotsAcross;
    private final int plotsDown;

    /**
     * A density.
     *
     * @param tableSize size of the text of the table, in points
     * @param plotsAcross how many plots stand side by side
     * @param plotsDown how many rows of plots fill a page
     */
    Density(float tableSize, int plotsAcross, int plotsDown) {
        this.tableSize = tableSize;
        this.plotsAcross = plotsAcross;
        this.plotsDown = plotsDown;
    }

    float tableSize() {
        return tableSize;
    }

    int plotsAcross() {
        return plotsAcross;
    }

    int plotsDown() {
        return plotsDown;
    }
}
