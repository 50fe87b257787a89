interface Window {
  htmx: { swap(ctx: { text: string; target: string; swap: string; sourceElement: Element }): Promise<void> };
}
