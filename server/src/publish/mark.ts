/** What our files begin with, so that they may be replaced and others are not. */

export const HTML_MARK = '<meta name="generator" content="Kitquill">';
