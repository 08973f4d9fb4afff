/** The first start: begin with one's own workshop, or look round the demo. */
export const start = {
  title: 'Welcome to Benchtide',
  lead: 'How do you want to begin?',
  workshop: 'My workshop',
  own: {
    title: 'My own workshop',
    text: 'It is empty. Four short steps lead to your first plan: your mould, your recipe, your hours, the start.',
    go: 'Begin',
    making: 'One moment …',
  },
  demo: {
    title: 'The demo',
    text: 'Invented recipes, runs and logs, to look at and to try things in. The demo stays apart: nothing in it counts for your forecasts. You can leave it and throw it away at any time.',
    go: 'Look round the demo',
    making: 'The demo is being set up. This takes some seconds …',
  },
};
